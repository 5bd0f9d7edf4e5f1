import { good, type Result } from '@lastinch/core';
import { couponForm } from '@lastinch/core/rigfile';
import { type CouponPlan, couponPlan } from '@lastinch/core/stops';
import { couponFile, couponSolids } from '@lastinch/mesh';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { writeNewFile, writeOver } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { cellsAsked, materialAsked, materialName, OptionReader } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopCouponsPage } from '../terminal/stop-coupons-page.ts';

export interface StopCouponsOptions {
  readonly cell?: string;
  readonly wall?: string;
  readonly material?: string;
  readonly form?: string;
  readonly out?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch stop coupons`: what to print and press so that a print's material is known. */
export async function stopCoupons(options: StopCouponsOptions): Promise<ExitCode> {
  const reader = new OptionReader();
  const units = unitsAsked(options.units);
  if (!units.ok) reader.problems.push(...units.problems);
  const cells = cellsAsked(options, reader);
  const material = await materialAsked(options.material, reader);
  if (options.out !== undefined && !/\.3mf$/i.test(options.out))
    reader.refuse('-o', options.out, 'a name that ends in .3mf');
  if (reader.problems.length > 0 || material === null || !units.ok) return refuse(reader.problems);
  const answer = couponPlan({ ...cells, material });
  if (!answer.ok) return refuse(answer.problems);
  const plan = answer.value;
  const system = units.value ?? 'metric';
  const form = couponForm(plan, system);
  if (options.form !== undefined) {
    const written = writeNewFile(options.form, form);
    if (!written.ok) return refuse(written.problems);
  }
  if (options.out !== undefined) {
    const written = writeSolids(options.out, plan);
    if (!written.ok) return refuse(written.problems);
  }
  if (options.json) writeJson({ schema: 'lastinch/stop-coupons/1', units: 'SI', ...plan, form });
  else
    writeLines(
      stopCouponsPage(
        {
          material: materialName(material),
          plan,
          form: options.form ?? null,
          solids: options.out ?? null,
        },
        paperFor(process.stdout, process.env, system),
      ),
    );
  return 0;
}

/** All coupons, every copy, on one plate. */
function writeSolids(file: string, plan: CouponPlan): Result<string> {
  const progress = progressLine(process.stderr);
  const made = couponSolids(plan, (share) => progress.show('cutting coupons', share));
  progress.clear();
  if (!made.ok) return made;
  const all = made.value.flatMap((coupon) =>
    plan.coupons
      .filter(({ density }) => density === coupon.density)
      .map(({ name, density }) => ({ ...coupon, name: `${name}, ${Math.round(100 * density)} %` })),
  );
  const written = writeOver(file, couponFile('coupons', all, plan.diameter));
  return written.ok ? good(file) : written;
}
