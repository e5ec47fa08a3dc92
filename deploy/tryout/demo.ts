/** What Ms Wren put into her course: made up, with problems of our own. */
export interface DemoActivity {
  title: string;
  description: string;
  /** Points in the gradebook; null: practice without marks. */
  points: number | null;
  policy?: { presentation: boolean };
  problems: { stage: string; multiplicand: string; multiplier: string }[];
}

export const DEMO_ACTIVITIES: DemoActivity[] = [
  {
    title: 'Two products with the mat',
    description: 'Lay the bars, count, exchange, and read the product. This one is marked.',
    points: 10,
    problems: [
      { stage: 'bars1', multiplicand: '24', multiplier: '3' },
      { stage: 'bars', multiplicand: '132', multiplier: '23' },
    ],
  },
  {
    title: 'Practice with the mat',
    description: 'Try as often as you like. Nobody marks it.',
    points: null,
    policy: { presentation: true },
    problems: [
      { stage: 'bars1', multiplicand: '213', multiplier: '4' },
      { stage: 'bars', multiplicand: '45', multiplier: '12' },
      { stage: 'bars', multiplicand: '304', multiplier: '21' },
    ],
  },
];
