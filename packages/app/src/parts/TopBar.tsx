import type { UnitSystem } from '@lastinch/core';
import { useId, useRef } from 'react';
import type { Theme } from '../session.ts';
import { PlainButton } from './PlainButton.tsx';
import { Segments } from './Segments.tsx';
import style from './TopBar.module.css';

export interface TopBarProps {
  readonly rigName: string;
  readonly fileName: string;
  readonly saved: boolean;
  readonly demo: boolean;
  readonly busy: boolean;
  /** What undo and redo would act on; null when there is nothing. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  readonly system: UnitSystem;
  readonly theme: Theme;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  readonly onOpen: () => void;
  readonly onSave: () => void;
  readonly onSaveElsewhere: () => void;
  readonly onSystem: (system: UnitSystem) => void;
  readonly onTheme: (theme: Theme) => void;
}

/** Whose rig this is, whether it is saved, and what can be done with the file. */
export function TopBar(props: TopBarProps) {
  const more = useId();
  const popover = useRef<HTMLDivElement>(null);
  /** The list closes when something in it has been chosen. */
  const then = (command: () => void) => () => {
    popover.current?.hidePopover();
    command();
  };
  return (
    <header className={style.bar}>
      <div className={style.rig}>
        <img src="./mark.svg" alt="Lastinch" className={style.mark} width="32" height="32" />
        <div className={style.names}>
          <h1 className={style.name}>{props.rigName}</h1>
          <p className={style.file}>
            <span className={style.fileName}>{props.fileName}</span>
            <span className={style.state} data-saved={props.saved}>
              {props.saved ? 'saved' : props.demo ? 'demo, not saved' : 'not saved'}
            </span>
          </p>
        </div>
      </div>
      <div className={style.actions}>
        <PlainButton
          weight="quiet"
          isDisabled={props.undoLabel === null}
          onPress={props.onUndo}
          aria-label={props.undoLabel === null ? 'Undo' : `Undo: ${props.undoLabel}`}
        >
          <Arrow back />
          <span className={style.wide}>Undo</span>
        </PlainButton>
        <PlainButton
          weight="quiet"
          isDisabled={props.redoLabel === null}
          onPress={props.onRedo}
          aria-label={props.redoLabel === null ? 'Redo' : `Redo: ${props.redoLabel}`}
        >
          <Arrow />
          <span className={style.wide}>Redo</span>
        </PlainButton>
        <PlainButton weight="strong" isDisabled={props.busy} onPress={props.onSave}>
          Save
        </PlainButton>
        <button type="button" className={style.moreButton} popoverTarget={more}>
          More
        </button>
      </div>
      <div ref={popover} id={more} popover="auto" className={style.more}>
        <PlainButton onPress={then(props.onOpen)}>Open a rig file…</PlainButton>
        <PlainButton isDisabled={props.busy} onPress={then(props.onSaveElsewhere)}>
          Save a copy…
        </PlainButton>
        <Segments
          label="Figures shown in"
          options={[
            { value: 'shop', label: 'Inches, lb' },
            { value: 'metric', label: 'mm, kg' },
          ]}
          value={props.system}
          onChange={(value) => props.onSystem(value as UnitSystem)}
        />
        <Segments
          label="Light"
          options={[
            { value: 'auto', label: 'As the system' },
            { value: 'light', label: 'Day' },
            { value: 'dark', label: 'Night' },
          ]}
          value={props.theme}
          onChange={(value) => props.onTheme(value as Theme)}
        />
      </div>
    </header>
  );
}

function Arrow({ back = false }: { readonly back?: boolean }) {
  return (
    <svg
      viewBox="0 0 20 20"
      width="20"
      height="20"
      aria-hidden="true"
      className={back ? undefined : style.mirrored}
    >
      <path d="M7 4L3 8l4 4M3.5 8H12a4.5 4.5 0 010 9H8" className={style.arrow} />
    </svg>
  );
}
