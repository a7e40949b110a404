import { telegramRig } from '../helpers/telegram-rig.ts';
import { channelContract } from './channel.ts';

channelContract('Telegram', () => telegramRig());
