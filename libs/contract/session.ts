import { z } from 'zod';
import { ruleError } from './accepted-error.js';
import { instant, title, uuid } from './common.js';

/** What a browser signs in with: a code that was shown elsewhere, or the access key itself. */
export const signIn = z
  .strictObject({
    code: z
      .string()
      .min(1)
      .max(40)
      .optional()
      .meta({ description: 'Good once, for 15 minutes; case, hyphens and spaces do not matter' }),
    key: z.string().min(1).max(200).optional().meta({ description: 'An access key' }),
    device: title
      .max(60)
      .default('browser')
      .meta({ description: 'What the list of devices calls this browser' }),
  })
  .refine(({ code, key }) => (code === undefined) !== (key === undefined), {
    path: ['code'],
    ...ruleError('code-or-key'),
  })
  .meta({ id: 'SignIn' });

/** Who one is. */
export const session = z
  .strictObject({
    workshop: z.strictObject({
      id: uuid,
      title: z.string(),
      timeZone: z.string(),
      isDemo: z.boolean().meta({ description: 'Everything in it is invented' }),
      begun: z.boolean().meta({ description: 'False: its maker has not chosen yet how to begin' }),
    }),
    demo: uuid
      .nullable()
      .meta({ description: 'Id of the demo, for `Benchtide-Workshop`; null: there is none' }),
    key: z.strictObject({ id: uuid, label: z.string(), createdAt: instant }),
  })
  .meta({ id: 'Session' });

/** A code for another device. */
export const signInCode = z
  .strictObject({
    code: z.string().meta({ examples: ['7K2M-XQ4D'] }),
    path: z.string().meta({ description: 'The link, from the address of this program on' }),
    addresses: z.array(z.string()).meta({
      description: 'Where other devices of the home network find it; none: only this machine reaches it',
    }),
    expiresAt: instant,
  })
  .meta({ id: 'SignInCode' });

/** A device that is signed in, or a program that holds a key. */
export const accessKey = z
  .strictObject({
    id: uuid,
    label: z.string(),
    createdAt: instant,
    lastSeenAt: instant.nullable().meta({ description: 'To some minutes; null: not known' }),
    current: z.boolean().meta({ description: 'Whether this very request came with it' }),
  })
  .meta({ id: 'AccessKey' });

/** Another name for a device. */
export const keyRenaming = z.strictObject({ label: title.max(60) }).meta({ id: 'KeyRenaming' });

/** The demo, once it is there. */
export const demoWorkshop = z.strictObject({ id: uuid, title: z.string() }).meta({ id: 'DemoWorkshop' });

export type SignIn = z.output<typeof signIn>;
export type DemoWorkshopView = z.infer<typeof demoWorkshop>;
export type SessionView = z.infer<typeof session>;
export type SignInCodeView = z.infer<typeof signInCode>;
export type AccessKeyView = z.infer<typeof accessKey>;
