import { existsSync, watch } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import path from 'node:path';
import { compute } from '../pipeline.ts';
import { audienceOf, folderOf, languageOf, type Options, type RunCommand } from './commands.ts';
import { type Effects, progressOf } from './effects.ts';
import { Fault } from './fault.ts';
import { countWords, formatProblems } from './format-problems.ts';
import { loadWorkspace, SENT } from './load-workspace.ts';
import { PreviewSite } from './preview-site.ts';
import { Session } from './session.ts';
import { answerTrace } from './trace-requests.ts';

export const serve: RunCommand = async (options, effects) => {
  const port = Number(options.flags.port ?? 8040);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Fault(`"${String(options.flags.port)}" is no port. Write a number such as 8040.`);
  const preview = await startPreview(options, effects, port);
  const stopped = new Promise<void>((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
  effects.out(`\nThe site is shown at  ${preview.address}\nOnly this computer can see it. Stop with Ctrl+C.\n`);
  await stopped;
  preview.close();
  return 0;
};

/** A running preview. */
export interface Preview {
  readonly address: string;
  close(): void;
}

/** Builds, serves on loopback, and rebuilds on every change below `entries/`, deletions included. */
export async function startPreview(options: Options, effects: Effects, port: number): Promise<Preview> {
  const folder = folderOf(options, effects);
  const audience = audienceOf(options);
  const listeners = new Set<ServerResponse>();
  const site = await PreviewSite.open();
  const session = new Session();
  let fault: string | null = null;
  let shown = 0;
  const rebuild = async (): Promise<void> => {
    try {
      effects.progress?.({ what: 'Reading and computing' });
      const computed = compute(await loadWorkspace(folder, session), audience, {
        language: languageOf(options),
        inItsLanguage: true,
        session,
      });
      const pages = await site.update({
        computed,
        folder,
        built: effects.today(),
        session,
        preview: true,
        ...progressOf(effects),
      });
      fault = null;
      shown += 1;
      const { errors } = computed;
      effects.out(
        `${errors.length > 0 ? formatProblems(errors, 'text', computed.problems) : `${countWords(computed.problems)} `}${shown === 1 ? `${pages} pages.` : 'The change is shown.'}\n`,
      );
    } catch (error) {
      fault = (error as Error).message;
      if (shown > 0) effects.err(`${fault}\nThe last good site is still shown.\n`);
    }
    for (const listener of listeners) listener.write('data: changed\n\n');
  };
  // Watched from the first moment on: what is saved while the first site is made comes after it.
  const first = rebuild();
  const watcher = watchFolders([path.join(folder, 'entries'), path.join(folder, SENT)], rebuild, first);
  await first;
  if (fault !== null) {
    watcher.close();
    site.close();
    throw new Fault(fault);
  }
  const server = createServer((request, response) => {
    answer({ site, folder, listeners, fault: () => fault }, request, response).catch((error: Error) => {
      // One page that cannot be read never ends the preview.
      if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' });
      response.end(`This page could not be read: ${error.message}`);
    });
  });
  const used = await listen(server, port);
  return {
    address: `http://127.0.0.1:${used}/`,
    close: () => {
      watcher.close();
      site.close();
      for (const listener of listeners) listener.end();
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Listens on loopback; moves to the next port where one is taken (port 0: any free one). */
async function listen(server: Server, port: number): Promise<number> {
  for (let attempt = port; attempt < port + 20; attempt += 1) {
    const used = await new Promise<number | null>((resolve, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) =>
        error.code === 'EADDRINUSE' ? resolve(null) : reject(error),
      );
      server.listen(attempt, '127.0.0.1', () => resolve((server.address() as { port: number }).port));
    });
    if (used !== null) return used;
    server.removeAllListeners('error');
  }
  throw new Fault(`The ports ${port} to ${port + 19} are all in use. Try another with --port.`);
}

/** How long a folder has to be at rest, in ms: an editor saves in two or three steps that follow at once. */
const REST_MS = 20;

/** Calls back, once changes have come to rest and `before` is over, when something in one of the folders changes; those that are not there are left out. */
function watchFolders(
  folders: readonly string[],
  changed: () => Promise<void>,
  before: Promise<void>,
): { close(): void } {
  let timer: NodeJS.Timeout | null = null;
  let running = before;
  const soon = (): void => {
    if (timer) clearTimeout(timer);
    timer = setTimeout(() => {
      running = running.then(changed);
    }, REST_MS);
  };
  const watchers = folders
    .filter((folder) => existsSync(folder))
    .map((folder) => watch(folder, { recursive: true }, soon));
  for (const watcher of watchers) watcher.on('error', () => soon());
  return {
    close: () => {
      if (timer) clearTimeout(timer);
      for (const watcher of watchers) watcher.close();
    },
  };
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.woff2': 'font/woff2',
};

const RELOAD = `const source = new EventSource('/_preview/changes');
source.onmessage = () => location.reload();
fetch('/_preview/fault').then((answer) => answer.text()).then((fault) => {
  if (fault === '') return;
  const box = document.createElement('aside');
  box.className = 'banner';
  box.setAttribute('role', 'alert');
  box.textContent = 'The last build failed, so this is the last good site. ' + fault;
  document.querySelector('main')?.before(box);
});
`;

interface Shown {
  readonly site: PreviewSite;
  readonly folder: string;
  readonly listeners: Set<ServerResponse>;
  fault(): string | null;
}

async function answer(
  { site, folder, listeners, fault }: Shown,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const send = (status: number, type: string, body: string | Buffer): void => {
    response.writeHead(status, {
      'content-type': type,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  };
  const host = (request.headers.host ?? '').replace(/:\d+$/, '');
  if (host !== '127.0.0.1' && host !== 'localhost')
    return send(403, 'text/plain', 'This preview answers to this computer only.');
  const address = decodeAddress(request.url ?? '/');
  if (address === '/_preview/changes') {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    listeners.add(response);
    request.on('close', () => listeners.delete(response));
    return;
  }
  if (address === '/_preview/trace') {
    const { status, body } = await answerTrace(folder, request);
    return send(status, TYPES['.json'] as string, JSON.stringify(body));
  }
  if (address === '/_preview/fault') return send(200, 'text/plain; charset=utf-8', fault() ?? '');
  if (address === '/_preview/reload.js') return send(200, TYPES['.js'] as string, RELOAD);
  const wanted = address.endsWith('/') ? `${address}index.html` : address;
  const page = await site.find(wanted.slice(1));
  if (page === null) {
    return send(
      404,
      TYPES['.html'] as string,
      withReload(
        '<!doctype html><html lang="en"><head><title>Not found</title></head><body><main><p>There is no such page in this site. <a href="/">The opening page</a></p></main></body></html>',
      ),
    );
  }
  const type =
    TYPES[path.extname(address)] ?? (address.endsWith('/') ? (TYPES['.html'] as string) : 'application/octet-stream');
  return send(200, type, type.startsWith('text/html') ? withReload(page.toString()) : page);
}

function withReload(html: string): string {
  return html.replace('</head>', '<script src="/_preview/reload.js" defer></script></head>');
}

function decodeAddress(url: string): string {
  try {
    return decodeURIComponent(url.split('?')[0] as string);
  } catch {
    return '/';
  }
}
