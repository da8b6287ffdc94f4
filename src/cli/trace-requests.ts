import type { IncomingMessage } from 'node:http';
import { phrase, type Said } from '../base/said.ts';
import type { Sayer } from '../language/sayer.ts';
import { Fault } from './fault.ts';
import { saveTrace } from './save-trace.ts';

/** Most bytes that a trace may have. */
const MOST_BYTES = 1_000_000;

/** What the preview answers to a page that saves a trace. */
export interface TraceAnswer {
  readonly status: number;
  readonly body: { readonly message: string; readonly entry?: string };
}

/**
 * Answers a request to save a trace. Only pages of this very preview may ask: the `Origin` that every browser sends with such a
 * request must be the preview's own address, and the body must be JSON, which pages of other sites cannot send unasked.
 */
export async function answerTrace({ say }: Sayer, folder: string, request: IncomingMessage): Promise<TraceAnswer> {
  const refuse = (status: number, message: Said): TraceAnswer => ({ status, body: { message: say(message) } });
  if (request.method !== 'POST') return refuse(405, phrase('Traces are sent with POST.'));
  if (request.headers.origin !== `http://${request.headers.host}`)
    return refuse(403, phrase('Only a page of this preview may save a trace.'));
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? ''))
    return refuse(415, phrase('A trace is sent as JSON.'));
  try {
    const text = await bodyOf(request);
    if (text === null) return refuse(413, phrase('The trace is too large.'));
    const saved = await saveTrace(folder, parse(text));
    const where: Said = saved.isNew
      ? phrase('Written: {0}, a new entry.', saved.file)
      : phrase('Added to {0}, as one line.', saved.file);
    return {
      status: 200,
      body: { message: say(phrase('{0} The page is built again now.', where)), entry: saved.entry },
    };
  } catch (error) {
    if (error instanceof Fault) return refuse(409, error.said);
    return refuse(
      500,
      phrase(
        'The trace could not be written ({0}). Nothing was changed.',
        (error as NodeJS.ErrnoException).code ?? 'unknown',
      ),
    );
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

async function bodyOf(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request) {
    size += (part as Buffer).length;
    if (size > MOST_BYTES) return null;
    parts.push(part as Buffer);
  }
  return Buffer.concat(parts).toString('utf8');
}
