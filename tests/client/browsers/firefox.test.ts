import { FIREFOX } from './engines.ts';
import { stagesIn } from './stages-in.ts';

stagesIn(FIREFOX);
