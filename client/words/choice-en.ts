/** The start screen of a choice, in English: fetched where there is one. */
export const choiceEn = {
  chooseOne: 'Which one do you want to do?',
  chosenBefore: 'You chose this one before. Go on with it.',
  someQuestions: '{count} questions about the mat',
  freeMat: 'A mat of your own',
} as const;
