/** The child's own result, in English: fetched when it is first looked at. */
export const resultEn = {
  resultTitle: 'Your work',
  resultAtOnce: 'right at once',
  resultMended: 'put right',
  resultHinted: 'with help',
  resultFollows: 'right after a slip',
  resultNotRight: 'to look at again',
  resultOpen: 'not done',
  resultScore: '{awarded} of {available}',
  resultSent: 'Your teacher has your work.',
  resultWaiting: 'On its way to your teacher.',
  resultUnsent: 'Your work is still on this device. Keep the page open until it is saved.',
  resultByTeacher: 'Your teacher will show you the result.',
  workAgain: 'Another round, for yourself',
  thisRound: 'In the round for yourself:',
  goBack: 'Back to my work',
} as const;
