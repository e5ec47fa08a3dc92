import { bars, bars1 } from './bars.ts';
import { build } from './build.ts';
import { cells } from './cells.ts';
import { facts } from './facts.ts';
import { know } from './known.ts';
import { open } from './open.ts';
import { paper } from './paper.ts';
import { record } from './record.ts';
import { walk } from './walk.ts';

/** Every stage, for those who may meet any. */
know(walk, build, bars1, bars, facts, record, cells, paper, open);
