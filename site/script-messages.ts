/** What the scripts of pages say, by the name of the script: a page in another language brings their words with it. */
export const SCRIPT_MESSAGES: Readonly<Record<string, readonly string[]>> = {
  'close.js': ['{0} Arrow keys move, plus and minus come nearer and go back, 0 shows the whole.'],
  'compare.js': ['{0} per cent from the left', 'Left: {0}; right: {1}.'],
  'registers.js': ['Show only rows with', '{0} of {1}'],
  'search.js': ['Search for', 'Nothing found.', 'Found: {0}.', 'Found: {0}; the first {1} are shown.'],
  'tracing.js': [
    'The last at ({0}, {1}) mm.',
    'Its sides cross; that cannot be used.',
    'Area {0} cm².',
    'Length {0} mm.',
    'Points: {0}.',
    'All points are taken away. Escape brings them back.',
    'Copied.',
    'Write a title for the new trace first.',
    'The preview does not answer; copy the line instead.',
  ],
};
