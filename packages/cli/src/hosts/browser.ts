import { spawn } from 'node:child_process';

/**
 * Asks the desktop to show an address. Silent when it cannot: the address stands in the terminal.
 * The address is our own, so no part of it comes from a user.
 */
export function showInBrowser(address: string): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '""', address]
        : ['xdg-open', address];
  const child = spawn(command ?? '', args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}
