// Where an address leads nowhere: the header still leads somewhere.

import { greetAnyone } from './header.js';

greetAnyone();
