import { registry } from '../../functions/index.ts';
import { register } from './register.ts';

register(registry);
