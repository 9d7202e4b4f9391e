// The pages of the book.

export const TABS = [['ledger', 'Ledger'], ['nodes', 'Nodes'], ['findings', 'Findings'], ['order', 'Order'], ['estimates', 'Estimates'],
  ['revisions', 'Revisions'], ['sequence', 'Sequence'], ['site', 'On the roof'], ['rules', 'Rules'], ['notes', 'Cautions']];
