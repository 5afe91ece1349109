import type { Role } from '../../../main/operations/contracts/index.ts'

const roles: Readonly<Record<Role, string>> = { accountant: 'Accountant', inspector: 'Inspector', analyst: 'Analyst', administrator: 'Administrator' }

export const desk = {
  roles, roleList: (of: readonly Role[]): string => of.map((role) => roles[role]).join(', ') || 'no role',
  onlyFor: (of: readonly Role[]): string => (of.length === 0 ? 'Needs a role at this terminal.' : `Only for ${of.map((role) => roles[role].toLowerCase()).join(' or ')}.`),
  signIn: {
    title: 'Sign in', says: (terminal: string, station: string): string => `${terminal === '' ? 'Dipledger' : terminal}, desk ${station}`,
    person: 'Person', nobody: 'By the clock of this machine nobody on record is in force yet: check its date and time.', choose: 'choose …', passphrase: 'Passphrase', submit: 'Sign in', waiting: 'Checking …', noPassphrase: 'no passphrase yet: an administrator sets one',
  },
  lock: {
    title: 'Desk locked', says: (name: string): string => `${name} is at this desk. What was on the screen is kept as it was.`, submit: 'Unlock', leave: 'Leave the desk', leaveSays: 'Somebody else can sign in then. Drafts are kept.',
  },
  band: { label: 'At the desk', lock: 'Lock', leave: 'Leave', lockKey: 'Lock the desk', leaveKey: 'Leave the desk', lockKeys: 'Alt+L', leaveKeys: 'Alt+Shift+L' },
  waiting: {
    title: 'Waiting for approval', none: 'Nothing waits for approval.', what: 'What it posts', preparedBy: 'Prepared by', at: 'Prepared', note: 'Note', actions: 'Approve or reject',
    approve: 'Approve', reject: 'Reject …', withdraw: 'Withdraw', draftBack: 'Withdrawn. Its draft is there again:', openDraft: 'open it', approved: (what: string): string => `Approved and posted: ${what}`, rejected: (what: string): string => `Rejected: ${what}`, wrong: (why: string): string => `Cannot be posted now: ${why}`,
    rejectTitle: (what: string): string => `Reject: ${what}`, reason: 'Reason', rejectSubmit: 'Reject', rejectSays: 'Whoever prepared it reads the reason in the ledger.',
  },
  prepare: 'Prepare for approval', prepared: 'Prepared. Somebody else with the role approves it; it waits on the first page and under People.', posts: 'It will post:', done: 'Close',
  people: {
    title: 'People at the desk', none: 'Nobody is on record: everybody may do everything, and entries bear the name that is typed. The first person on record is an administrator; from then on a passphrase is asked for.',
    columns: { name: 'Name', id: 'Id', party: 'Party', roles: 'Roles', since: 'In force since', passphrase: 'Passphrase' },
    set: 'set', notSet: 'not set', left: 'no longer active', newPerson: 'New person …', rules: 'Desk rules …', passphraseOf: 'Passphrase …', change: 'Change …',
    ruleLine: (two: boolean, minutes: number): string => `${two ? 'Two people: who prepares does not approve' : 'One person may prepare and approve'}; a desk locks after ${minutes} idle minutes.`,
    table: 'What each role may do', operation: 'Operation', may: 'may', second: 'may; a second person approves where two are needed', signs: '● may; ◐ may, and where two people are needed a second one approves. What is not in the table everybody with a role may do.',
  },
  person: {
    newTitle: 'New person', firstTitle: 'First person on record', title: (name: string): string => name, name: 'Name', id: 'Id', idHint: 'first-last, lower case', party: 'Party', choose: 'choose …', roles: 'Roles', active: 'Works here', activeHint: 'whoever has left stays on record',
    passphrase: 'Passphrase', again: 'The same again', differ: 'The two passphrases differ.', submit: 'Enter',
    firstSays: 'From now on nobody works with this ledger without signing in. The first person administers it and enters the others; without the passphrase nobody can. It has at least ten characters.',
    newSays: 'The passphrase may be set now or later. It has at least ten characters and is kept nowhere, only what it can be checked against.',
  },
  passphrase: {
    title: (name: string): string => `Passphrase of ${name}`, old: 'Old passphrase', fresh: 'New passphrase', again: 'The same again', submit: 'Set', otherSays: 'The ledger will say that you set it. Let the person change it at once.', ownSays: 'At least ten characters; several words are easiest to keep.',
  },
  rules: {
    title: 'Desk rules', approval: 'Approval', onePerson: 'one person may prepare and approve', twoPeople: 'two people: who prepares does not approve', idle: 'Lock after idle minutes', submit: 'Set', minutes: 'write a whole number of minutes, 1 to 480',
    says: 'Where two people are needed, what changes book, limits, tanks and products is prepared by one and approved by another.',
  },
} as const
