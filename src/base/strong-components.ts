/**
 * Groups of nodes each of which leads to all others of its group (Tarjan, SIAM Journal on Computing 1, 1972),
 * without recursion; groups that lead nowhere else come first, nodes of a group in ascending order.
 * @param count nodes are 0 to count - 1
 * @param leadsTo the k-th node that a node leads to, from k = 0; undefined where there is none
 */
export function strongComponents(
  count: number,
  leadsTo: (node: number, k: number) => number | undefined,
): readonly (readonly number[])[] {
  const index = new Int32Array(count).fill(-1);
  const low = new Int32Array(count);
  const onStack = new Uint8Array(count);
  const cursor = new Int32Array(count);
  const stack: number[] = [];
  const found: (readonly number[])[] = [];
  let counter = 0;
  for (let root = 0; root < count; root += 1) {
    if (index[root] !== -1) continue;
    const path = [root];
    while (path.length > 0) {
      const node = path[path.length - 1] as number;
      if (index[node] === -1) {
        index[node] = counter;
        low[node] = counter;
        counter += 1;
        stack.push(node);
        onStack[node] = 1;
      }
      const next = leadsTo(node, cursor[node] as number);
      if (next !== undefined) {
        cursor[node] = (cursor[node] as number) + 1;
        if (index[next] === -1) path.push(next);
        else if (onStack[next]) low[node] = Math.min(low[node] as number, index[next] as number);
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) low[parent] = Math.min(low[parent] as number, low[node] as number);
      if (low[node] === index[node]) found.push(popGroup(stack, onStack, node));
    }
  }
  return found;
}

function popGroup(stack: number[], onStack: Uint8Array, root: number): readonly number[] {
  const members: number[] = [];
  for (;;) {
    const node = stack.pop() as number;
    onStack[node] = 0;
    members.push(node);
    if (node === root) return members.sort((a, b) => a - b);
  }
}
