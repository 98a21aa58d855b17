import { answerAt } from '../desk.ts';
import { ownThreadPort } from '../threads.ts';
import { type Trial, trial } from './trial.ts';

answerAt<Trial>(ownThreadPort(), trial(), ['urgent']);
