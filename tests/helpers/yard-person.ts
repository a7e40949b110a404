import type { Role } from '../../adapters/yard/world.ts';
import type { PagesWorld } from './pages-world.ts';
import { unescaped, type WebPerson, webPerson } from './web-person.ts';

export type YardPerson = WebPerson & {
  /** Sends the form that stands on a page, with its hidden fields; those given stand over them. */
  readonly press: (page: string, action: string, fields?: Readonly<Record<string, string | File>>) => Promise<Response>;
};

/** Someone of the yard whose browser runs no scripts, signed in. */
export async function yardPerson(world: PagesWorld, name: string, role: Role = 'staff'): Promise<YardPerson> {
  const person = webPerson(world, '/yard');
  await person.post({}, `/yard/sign-in/${await world.invite(name, role)}`);
  return {
    ...person,
    press: async (page, action, fields = {}) => {
      const html = await (await person.get(page)).text();
      const form = html.match(new RegExp(`<form[^>]*action="${action}"[^>]*>.*?</form>`, 's'))?.[0] ?? '';
      const hidden = [...form.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)];
      return person.post(
        { ...Object.fromEntries(hidden.map(([, name = '', value = '']) => [name, unescaped(value)])), ...fields },
        action,
      );
    },
  };
}
