import './design/tokens.css';
import './design/base.css';
import './design/picture.css';
import { pictureStyle } from '@lastinch/picture';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import demoAddress from '../../../examples/ochre/ochre.rig.yaml?url';
import { createChooseDesk } from './choosing.ts';
import { Container } from './container.tsx';
import { wouldLose } from './document/rig-document.ts';
import { createRideHost, spawnRideWorker } from './hosts/browser-worker.ts';
import { openServed, warnBeforeLeaving } from './keep/files.ts';
import { lateSweepDesk } from './late-sweeps.ts';
import { createLinksDesk, spawnLinksWorker } from './links.ts';
import { createRideDesk } from './rides.ts';
import { createSheetDesk, spawnSheetWorker } from './sheets.ts';
import { spawnMeshWorker } from './solids.ts';
import { createStopDesks, spawnStopWorker } from './stops.ts';
import { createWorkbench } from './workbench.ts';

// The content policy forbids style sheets written into the page; one that is constructed is allowed.
const sheet = new CSSStyleSheet();
sheet.replaceSync(pictureStyle);
document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];

const place = document.getElementById('workbench');
if (place === null) throw new Error('index.html has lost its #workbench');

const start = (await openServed()) ?? {
  name: 'ochre.rig.yaml',
  // Data, fetched beside the page where no rig is served, and no part of what the page has to read first.
  text: await (await fetch(demoAddress)).text(),
  home: { kind: 'nowhere' as const },
};
const workbench = createWorkbench(start);
const desk = createRideDesk(createRideHost(spawnRideWorker));
const sweeps = lateSweepDesk(async () => {
  const [desk, crew] = await Promise.all([import('./sweeps.ts'), import('./hosts/browser-crew.ts')]);
  return desk.createSweepDesk(crew.browserCrew());
});
const links = createLinksDesk(spawnLinksWorker);
const stops = createStopDesks(spawnStopWorker, spawnMeshWorker);
const choices = createChooseDesk(async () => (await import('./hosts/choose-crew.ts')).browserChooseHands());
const sheets = createSheetDesk(spawnSheetWorker);
warnBeforeLeaving(() => wouldLose(workbench.document.get()));

createRoot(place).render(
  <StrictMode>
    <Container
      workbench={workbench}
      desk={desk}
      sweeps={sweeps}
      links={links}
      stops={stops}
      choices={choices}
      sheets={sheets}
    />
  </StrictMode>,
);
