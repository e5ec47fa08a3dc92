import { WEBKIT } from './engines.ts';
import { stagesIn } from './stages-in.ts';

stagesIn(WEBKIT);
