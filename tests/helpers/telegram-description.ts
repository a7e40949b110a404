import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

type Field = {
  readonly name: string;
  readonly types: readonly string[];
  readonly required: boolean;
  readonly description?: string;
};
type Shape = { readonly fields?: readonly Field[]; readonly subtypes?: readonly string[] };

/** The Bot API as its makers publish it, or the few methods we call when the published file is not there. */
export type Description = {
  readonly version: string;
  readonly published: boolean;
  readonly methods: Readonly<Record<string, Shape>>;
  readonly types: Readonly<Record<string, Shape>>;
};

const FILE = fileURLToPath(new URL('../../../shared/data/telegram-bot-api/api.min.json', import.meta.url));

/** Method -> its fields; a required one ends in '!'. Used only where the published description is missing. */
const BUILT_IN: Readonly<Record<string, string>> = {
  getMe: '',
  getUpdates: 'offset limit timeout allowed_updates',
  setWebhook: 'url! max_connections allowed_updates drop_pending_updates secret_token',
  deleteWebhook: 'drop_pending_updates',
  getChat: 'chat_id!',
  leaveChat: 'chat_id!',
  getFile: 'file_id!',
  setMyCommands: 'commands! scope language_code',
  sendMessage:
    'chat_id! text! message_thread_id parse_mode link_preview_options disable_notification reply_parameters reply_markup',
  sendPhoto:
    'chat_id! photo! message_thread_id caption parse_mode show_caption_above_media disable_notification reply_parameters reply_markup',
  sendVoice: 'chat_id! voice! message_thread_id caption parse_mode disable_notification reply_parameters reply_markup',
  sendAudio: 'chat_id! audio! message_thread_id caption parse_mode disable_notification reply_parameters reply_markup',
  sendVideo: 'chat_id! video! message_thread_id caption parse_mode disable_notification reply_parameters reply_markup',
  sendAnimation:
    'chat_id! animation! message_thread_id caption parse_mode disable_notification reply_parameters reply_markup',
  sendVideoNote: 'chat_id! video_note! message_thread_id disable_notification reply_parameters reply_markup',
  sendSticker: 'chat_id! sticker! message_thread_id disable_notification reply_parameters reply_markup',
  sendDocument:
    'chat_id! document! message_thread_id caption parse_mode disable_notification reply_parameters reply_markup',
  sendLocation: 'chat_id! latitude! longitude! message_thread_id disable_notification reply_parameters reply_markup',
  sendContact:
    'chat_id! phone_number! first_name! message_thread_id disable_notification reply_parameters reply_markup',
  copyMessage:
    'chat_id! from_chat_id! message_id! message_thread_id disable_notification reply_parameters reply_markup',
  editMessageText: 'chat_id message_id text parse_mode link_preview_options reply_markup',
  editMessageCaption: 'chat_id message_id caption parse_mode reply_markup',
  editMessageReplyMarkup: 'chat_id message_id reply_markup',
  setMessageReaction: 'chat_id! message_id! reaction is_big',
  answerCallbackQuery: 'callback_query_id! text show_alert',
  createForumTopic: 'chat_id! name! icon_color',
  reopenForumTopic: 'chat_id! message_thread_id!',
  closeForumTopic: 'chat_id! message_thread_id!',
};

function builtIn(): Description {
  const methods = Object.fromEntries(
    Object.entries(BUILT_IN).map(([method, names]) => [
      method,
      {
        fields: names
          .split(' ')
          .filter((name) => name !== '')
          .map((name) => ({ name: name.replace('!', ''), types: ['Any'], required: name.endsWith('!') })),
      },
    ]),
  );
  return { version: 'built-in table', published: false, methods, types: {} };
}

let loaded: Description | null = null;

/** The published description where it exists; says so once where it does not. */
export function botApiDescription(): Description {
  if (loaded !== null) return loaded;
  if (existsSync(FILE)) {
    loaded = { ...(JSON.parse(readFileSync(FILE, 'utf8')) as Description), published: true };
  } else {
    console.log('The published Bot API description is not here: calls are checked against a small built-in table.');
    loaded = builtIn();
  }
  return loaded;
}

/**
 * What is wrong with a call, in words; empty when it is as published.
 *
 * @param payload The fields as the server would read them: values of a form that are not files or text already parsed.
 */
export function faultsInCall(
  description: Description,
  method: string,
  payload: Readonly<Record<string, unknown>>,
): string[] {
  const shape = description.methods[method];
  if (shape === undefined) return [`no such method: ${method}`];
  return faultsInFields(description, shape.fields ?? [], payload, method);
}

/** The same for an object that the server hands out, such as an Update. */
export function faultsInObject(description: Description, type: string, value: unknown): string[] {
  return faultsInValue(description, [type], value, type);
}

function faultsInFields(
  description: Description,
  fields: readonly Field[],
  value: Readonly<Record<string, unknown>>,
  at: string,
): string[] {
  const known = new Map(fields.map((field) => [field.name, field]));
  const faults: string[] = [];
  for (const name of Object.keys(value)) if (!known.has(name)) faults.push(`${at}: no field '${name}'`);
  for (const field of fields) {
    const given = value[field.name];
    if (given === undefined) {
      if (field.required) faults.push(`${at}: '${field.name}' is missing`);
    } else {
      faults.push(...faultsInValue(description, field.types, given, `${at}.${field.name}`));
      const only = onlyValue(field);
      if (only !== null && given !== only) faults.push(`${at}.${field.name}: must be '${only}'`);
    }
  }
  return faults;
}

/** What tells the kinds of a union apart: 'Type of the reaction, always "emoji"', 'Scope type, must be chat'. */
function onlyValue(field: Field): string | null {
  if (!['type', 'status', 'source'].includes(field.name)) return null;
  return /(?:always|must be) "?([a-z0-9_]+)"?$/.exec(field.description ?? '')?.[1] ?? null;
}

function faultsInValue(description: Description, types: readonly string[], value: unknown, at: string): string[] {
  const perType = types.map((type) => faultsInOne(description, type, value, at));
  return perType.some((faults) => faults.length === 0) ? [] : (perType.sort((a, b) => a.length - b.length)[0] ?? []);
}

function faultsInOne(description: Description, type: string, value: unknown, at: string): string[] {
  const wrong = [`${at}: expected ${type}, came ${JSON.stringify(value)?.slice(0, 80)}`];
  if (type.startsWith('Array of ')) {
    if (!Array.isArray(value)) return wrong;
    return value.flatMap((item, i) => faultsInOne(description, type.slice('Array of '.length), item, `${at}[${i}]`));
  }
  switch (type) {
    case 'Any':
      return [];
    case 'String':
      return typeof value === 'string' ? [] : wrong;
    case 'Integer':
      return Number.isSafeInteger(value) ? [] : wrong;
    case 'Float':
      return typeof value === 'number' ? [] : wrong;
    case 'Boolean':
      return typeof value === 'boolean' ? [] : wrong;
    case 'InputFile':
      return value instanceof File ? [] : wrong;
  }
  const shape = description.types[type];
  if (shape === undefined) return [`${at}: the description has no type ${type}`];
  if (shape.subtypes !== undefined) return faultsInValue(description, shape.subtypes, value, at);
  if (typeof value !== 'object' || value === null) return wrong;
  return faultsInFields(description, shape.fields ?? [], value as Record<string, unknown>, at);
}
