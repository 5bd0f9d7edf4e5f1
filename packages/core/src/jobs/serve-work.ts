import type { Bench } from './bench.ts';
import { openBench, rowsOf } from './work.ts';
import type { WorkAsk, WorkReply } from './work-messages.ts';

/**
 * The worker's side of shared work: answers each message at once. Every host's worker script is this and the wiring.
 *
 * @param say – posts a reply; `moved` are the buffers that go with it instead of being copied
 */
export function serveWork(
  say: (reply: WorkReply, moved: readonly ArrayBuffer[]) => void,
): (ask: WorkAsk) => void {
  let bench: Bench | null = null;
  return (ask) => {
    const { id } = ask;
    try {
      if (ask.kind === 'open') {
        const opened = openBench(ask.plan);
        bench = opened.ok ? opened.value : null;
        say({ kind: 'opened', id, problems: opened.ok ? [] : opened.problems }, []);
        return;
      }
      if (bench === null) throw new Error('rows were asked for before a plan');
      const rows = rowsOf(bench, ask.from, ask.to);
      say({ kind: 'rows-done', id, rows }, [rows.buffer]);
    } catch (error) {
      say({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) }, []);
    }
  };
}
