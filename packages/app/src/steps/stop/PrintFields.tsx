import { PRINT_MATERIALS, type VentHoles } from '@lastinch/core/stops';
import { useMemo } from 'react';
import { SEED } from '../../answers.ts';
import { Choice } from '../../parts/Choice.tsx';
import type { PrintShape } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { Field } from './Field.tsx';
import { type Forms, type Read, readList, readOne, useTyped } from './forms.ts';
import step from './StopStep.module.css';

/** Prints over the scatter of material and printer, as the command line takes. */
const TRIALS = 100;
const USUAL = { cell: '10 mm', wall: '0.8 mm', material: 'tpu-85a' } as const;

/** Outline, solid parts, cells and filament of a stop to print. */
export function PrintFields({ forms, shape }: { readonly forms: Forms; readonly shape: TypedShape }) {
  const [material, setMaterial] = useTyped(forms, 'print.material', USUAL.material);
  return (
    <div className={step.fields}>
      <Field
        forms={forms}
        name="print.height"
        label="Height"
        placeholder="70 mm"
        error={shape.height.error}
      />
      <Field
        forms={forms}
        name="print.diameter"
        label="Diameter"
        placeholder="60 mm, 50 mm"
        hint="At the foot, at the tip"
        error={
          (shape.diameters.value?.length ?? 0) > 2
            ? 'One, or that of the foot and that of the tip.'
            : shape.diameters.error
        }
      />
      <Field forms={forms} name="print.bore" label="Bore" placeholder="none" error={shape.bore.error} />
      <Field
        forms={forms}
        name="print.cell"
        usual={USUAL.cell}
        label="Lattice cell"
        hint="Edge of the repeating cube"
        error={shape.cell.error}
      />
      <Field
        forms={forms}
        name="print.wall"
        usual={USUAL.wall}
        label="Thinnest wall"
        hint="Two lines of the nozzle"
        error={shape.wall.error}
      />
      <Field
        forms={forms}
        name="print.skin"
        label="Skin"
        placeholder="none"
        hint="Solid wall around the lattice"
        error={shape.skin.error}
      />
      <Field forms={forms} name="print.foot" label="Solid foot" placeholder="none" error={shape.foot.error} />
      <Field forms={forms} name="print.cap" label="Solid tip" placeholder="none" error={shape.cap.error} />
      <Field
        forms={forms}
        name="print.vents"
        label="Vents through the skin"
        placeholder="2 x 4 mm"
        error={shape.vents.error}
      />
      <Choice
        label="Filament"
        value={material}
        options={PRINT_MATERIALS.map((each) => ({
          value: each,
          label: each.toUpperCase().replace('-', ' '),
        }))}
        onChange={setMaterial}
      />
    </div>
  );
}

export interface TypedShape {
  readonly height: Read<number>;
  readonly diameters: Read<readonly number[]>;
  readonly bore: Read<number>;
  readonly cell: Read<number>;
  readonly wall: Read<number>;
  readonly skin: Read<number>;
  readonly foot: Read<number>;
  readonly cap: Read<number>;
  readonly vents: Read<VentHoles>;
  /** Null while something of it is missing or wrong. */
  readonly whole: PrintShape | null;
}

/** What was typed about a shape, field by field, and the whole of it once nothing is missing. */
export function useTypedShape(forms: Forms): TypedShape {
  const all = useStore(forms, (texts) => texts);
  const text = (name: string, usual = ''): string => all[`print.${name}`] ?? usual;
  const texts = [
    text('height'),
    text('diameter'),
    text('bore'),
    text('cell', USUAL.cell),
    text('wall', USUAL.wall),
    text('skin'),
    text('foot'),
    text('cap'),
    text('vents'),
    text('material', USUAL.material),
  ].join('\n');
  return useMemo(() => {
    const [height, diameter, bore, cell, wall, skin, foot, cap, vents, material] = texts.split(
      '\n',
    ) as string[];
    const one = (typed = ''): Read<number> => readOne(typed, 'length');
    const read = {
      height: one(height),
      diameters: readList(diameter ?? '', 'length'),
      bore: one(bore),
      cell: one(cell),
      wall: one(wall),
      skin: one(skin),
      foot: one(foot),
      cap: one(cap),
      vents: readVents(vents ?? ''),
    };
    return { ...read, whole: wholeOf(read, material ?? '') };
  }, [texts]);
}

type Fields = Omit<TypedShape, 'whole'>;

function wholeOf(read: Fields, material: string): PrintShape | null {
  const { height, diameters, bore, cell, wall, skin, foot, cap, vents } = read;
  const known = PRINT_MATERIALS.find((one) => one === material);
  const [below, tip = below, ...more] = diameters.value ?? [];
  const isWrong = [bore, skin, foot, cap, vents].some(({ error }) => error !== null);
  if (isWrong || known === undefined || below === undefined || tip === undefined || more.length > 0)
    return null;
  if (height.value === null || cell.value === null || wall.value === null) return null;
  return {
    height: height.value,
    diameters: [below, tip],
    bore: bore.value ?? 0,
    cell: cell.value,
    wall: wall.value,
    skin: skin.value ?? 0,
    foot: foot.value ?? 0,
    cap: cap.value ?? 0,
    vents: vents.value,
    material: known,
    trials: TRIALS,
    seed: SEED,
  };
}

/** `2 x 4 mm`: how many, and how wide. */
function readVents(text: string): Read<VentHoles> {
  if (text.trim() === '') return { value: null, error: null };
  const holes = /^\s*(\d+)\s*[x×]\s*(.+)$/.exec(text);
  if (holes === null) return { value: null, error: 'How many and how wide, for example 2 x 4 mm.' };
  const diameter = readOne(holes[2] ?? '', 'length');
  if (diameter.value === null) return { value: null, error: diameter.error };
  return { value: { count: Number(holes[1]), diameter: diameter.value }, error: null };
}
