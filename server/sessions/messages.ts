/** What is said to somebody for whom there is no work and no class to show, by code. */
export const MESSAGES = {
  guest:
    'You can look at this course, but Placeweave keeps work only for people who are signed in to it.',
  mentor:
    'This is where your child works on the mat. There is nothing here that an adult needs to do.',
  noActivity:
    'No exercise has been chosen for this place yet. Teacher: edit this activity in your course and set the custom parameter "activity" to the id of an exercise.',
  unknownActivity:
    'The exercise that this place asks for does not exist for this school. Teacher: check the custom parameter "activity" of this activity in your course.',
} as const;

export type MessageCode = keyof typeof MESSAGES;
