import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import regular from '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf?inline';
import bold from '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf?inline';
import { bad, good, type Result } from '@lastinch/core';
import type { Typeset } from '@lastinch/paper';

const fontOf = (address: string): Buffer => Buffer.from(address.slice(address.indexOf(',') + 1), 'base64');

/**
 * A laid out sheet as PDF (tagged, PDF/UA-1), made on this machine by the typesetter that is installed beside the program:
 * no browser, no network. Fonts come along, so that it looks the same everywhere.
 *
 * @failure `file-no-typesetter` where that is not installed
 */
export async function pdfOf({ source, pictures }: Typeset): Promise<Result<Buffer>> {
  const typesetter = await import('@myriaddreamin/typst-ts-node-compiler').catch(() => null);
  if (typesetter === null)
    return bad({
      code: 'file-no-typesetter',
      where: { key: '--out' },
      found: '.pdf, without the package @myriaddreamin/typst-ts-node-compiler',
      accepted: 'a name that ends in .html, which a browser prints; or npm install with optional packages',
    });
  // The compiler wants a folder that exists; nothing is read from it or written to it.
  const folder = mkdtempSync(join(tmpdir(), 'lastinch-sheet-'));
  try {
    const compiler = typesetter.NodeCompiler.create({
      workspace: folder,
      fontArgs: [{ fontBlobs: [fontOf(regular), fontOf(bold)] }],
    });
    for (const { name, svg } of pictures) compiler.mapShadow(join(folder, name), Buffer.from(svg));
    const main = join(folder, 'sheet.typ');
    compiler.addSource(main, source);
    const pdf = compiler.pdf({ mainFilePath: main }, { pdfStandard: typesetter.PdfStandard.UA_1 });
    return good(pdf);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
