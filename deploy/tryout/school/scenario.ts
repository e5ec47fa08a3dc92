/** The made-up school: one course, one teacher, six children. Nobody here exists. */
export interface Person {
  /** Number of the account, as text; unique inside this school only. */
  id: string;
  given: string;
  family: string;
  username: string;
  /** Number in the school's own records. */
  record: string;
  role: 'Instructor' | 'Learner';
}

export const SCHOOL = {
  name: 'Harbour Lane School',
  short: 'harbour-lane',
  family: 'harbour-lane',
  version: '1',
  guid: '4b0f7a52c1de4c0c9a5d3c6e8f20aa01',
} as const;

export const COURSE = {
  id: '2',
  label: 'LANTERN',
  title: 'Mathematics, Lantern class',
  record: 'hl-lantern-maths',
} as const;

const child = (id: string, given: string): Person => ({
  id,
  given,
  family: 'of Lantern class',
  username: given.toLowerCase(),
  record: `C-20${id}`,
  role: 'Learner',
});

export const PEOPLE: readonly Person[] = [
  { id: '3', given: 'Ms', family: 'Wren', username: 'wren', record: 'T-100', role: 'Instructor' },
  child('4', 'Ada'),
  child('5', 'Bo'),
  child('6', 'Cleo'),
  child('7', 'Dov'),
  child('8', 'Esi'),
  child('9', 'Finn'),
];

export const CHILDREN = PEOPLE.filter((person) => person.role === 'Learner');

export const personOf = (id: string): Person | undefined =>
  PEOPLE.find((person) => person.id === id);

/** What the school's pages call a person: "Ms Wren", "Ada". */
export const calledName = (person: Person): string =>
  person.role === 'Instructor' ? `${person.given} ${person.family}` : person.given;
