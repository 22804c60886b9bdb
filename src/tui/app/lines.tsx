/**
 * Rows that are drawn already, as a component. Ink keeps every text that it has measured for ever, so what changes is put in
 * place of a constant text at the very end.
 */
import { Text, Transform } from 'ink';
import { memo } from 'react';

/** Rows of a block, one below the other, never wrapped. */
export const Lines = memo(function Lines({ rows }: { rows: readonly string[] }) {
  if (rows.length === 0) return null;
  const place = Array.from({ length: rows.length }, () => ' ').join('\n');
  return (
    <Transform transform={(_line, index) => rows[index] ?? ''}>
      <Text>{place}</Text>
    </Transform>
  );
});
