import { parentPort, workerData } from 'node:worker_threads';
import { parseText } from '../reading/parsed-text.ts';

/** A thread of `parseTexts`: hashes with their texts come in, hashes with what was parsed go out, as JSON. */
const share = workerData as readonly (readonly [string, string])[];
parentPort?.postMessage(JSON.stringify(share.map(([hash, text]) => [hash, parseText(text)])));
