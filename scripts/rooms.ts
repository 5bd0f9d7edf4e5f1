/** `npm run check:rooms`: refuses every import that rooms.json does not allow. */
import { checkRooms } from './cruise.ts';
import { houseFaults } from './house-rules.ts';

const report = await checkRooms(process.cwd());
const faults = [...report.faults, ...houseFaults(process.cwd())];
for (const fault of faults) console.error(fault);
console.log(
  faults.length === 0
    ? `rooms: ${report.modules} files, ${report.arrows} imports, all allowed`
    : `rooms: ${faults.length} faults in ${report.modules} files`,
);
process.exit(faults.length === 0 ? 0 : 1);
