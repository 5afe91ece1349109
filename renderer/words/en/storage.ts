export const storage = {
  title: 'Storage',
  kinds: { file: 'one file', server: 'on a server' },
  facts: {
    ledger: 'The ledger', keptIn: (kind: string, version: string): string => `${version}, ${kind}`, place: 'Place', next: 'At the next start', unreachable: 'Out of reach', room: 'Disk', clock: 'Clock',
    isFree: (free: string, _advised: string): string => `${free} GB free`, isScarce: (free: string, advised: string): string => `only ${free} GB free beside the ledger; make room until there are ${advised} GB, before a full disk stops the booking`,
    clockAgrees: 'as the server’s', clockDiffers: (ahead: number): string => `${Math.abs(ahead)} s ${ahead > 0 ? 'ahead of' : 'behind'} the server’s; set the clock of this machine, whose time stands in every entry`,
    sameNext: 'the same', fileNext: 'the file in the data folder', namedByStart: 'the ledger that is named when the program is started',
    backups: 'Backups', folder: 'Folder', rule: 'Rule', last: 'Last verified', due: 'Next due', failed: 'Last attempt',
    noneYet: 'none yet', onDemand: 'when you ask for one', running: 'one is being made now', overdue: (at: string): string => `since ${at}; it is made within a minute`, noRules: 'No folder for backups is set: a disk that fails takes the ledger with it.',
    lastIs: (at: string, entries: number): string => `${at}, up to entry ${entries}`, failedAt: (at: string, message: string): string => `${at}: ${message}`,
  },
  rule: (hours: number, last: number, days: number, weeks: number, months: number): string =>
    [hours === 0 ? 'on demand' : hours === 1 ? 'every hour' : `every ${hours} hours`, `kept: the newest ${last}`, ...(days > 0 ? [`${days} days`] : []), ...(weeks > 0 ? [`${weeks} weeks`] : []), ...(months > 0 ? [`${months} months`] : [])].join(', '),
  now: 'Back up now', cancel: 'Cancel', starting: 'Starting …', cancelled: 'The backup was cancelled; nothing was left of it.',
  progress: (what: string, done: number, of: number): string => (of > 0 ? `${what}: ${done} of ${of}` : `${what} …`),
  made: (name: string, entries: number, tickets: number, seconds: number): string => `${name} is made and verified: ${entries} entries, ${tickets} tickets, in ${seconds} s.`,
  rules: 'Rules …', restore: 'Restore …', export: 'Export …', import: 'Import …', copy: 'Copy …', nextStart: 'Name another ledger …',
  list: 'Backups', listOnly: (why: string): string => `What can be done with the ledger here, and the list of its backups, is not for everybody. ${why}`, empty: 'There is no backup in this folder yet.',
  columns: { at: 'Made', entries: 'Entries', head: 'Head', size: 'Size', standing: 'Standing', verified: 'Verified', fate: 'By the rule', name: 'File' },
  sizeUnit: 'kB',
  because: { newest: 'newest', last: 'among the newest', day: 'of its day', week: 'of its week', month: 'of its month', 'not verified': 'not verified', 'of another ledger': 'of another ledger' },
  kept: (because: string): string => (because === '' ? 'kept' : `kept: ${because}`), retired: 'deleted next',
  retireMany: (count: number): string => (count === 1 ? 'Delete 1 old backup …' : `Delete ${count} old backups …`),
  retire: {
    title: 'Delete old backups', submit: 'Delete them', says: 'The rule does not keep these. They are deleted only while the newest backup is, byte for byte, the file that was verified; after a scheduled backup this is done by itself.',
  },
  backup: {
    title: (name: string): string => name, verify: 'Verify again', whole: (entries: number): string => `It is whole: ${entries} entries, with every hash, document and list.`,
    damaged: (where: string, what: string): string => `It is damaged and cannot be used. ${where}: ${what}.`, restore: 'Restore from it …', close: 'Close',
    says: 'A backup is a whole ledger in one file. Verifying opens a copy of it and checks every entry, document and list.',
  },
  rulesForm: {
    title: 'Rules for backups', submit: 'Set', folder: 'Folder on this machine', everyHours: 'Hours between backups', last: 'Newest kept', days: 'Days kept', weeks: 'Weeks kept', months: 'Months kept',
    says: 'Choose a folder on another disk than the ledger: a backup beside it is lost with it. 0 hours: only when you ask for one. Of every day, week and month that has a backup the newest is kept, for as many as are written; the newest verified one always.',
    notWhole: 'write a whole number, 0 or more',
  },
  jobs: {
    restore: {
      title: 'Restore a backup into a new place', submit: 'Restore', backup: 'Backup', backupHint: 'its name here, or its whole path', to: 'New ledger', toHint: 'a path at which there is nothing yet, as /srv/restored/ledger.db',
      says: 'The ledger in use stays as it is. What is restored is checked before it stands at its place, and again there.',
    },
    export: {
      title: 'Export the ledger', submit: 'Export', to: 'New file', toHint: 'as /srv/exchange/ledger.jsonl',
      says: 'Every entry and document as lines of JSON, with every hash, to be read and checked by others. No key, passphrase or draft is in it.',
    },
    import: {
      title: 'Import an exported ledger', submit: 'Import', from: 'Exported file', fromHint: 'its whole path', to: 'New ledger', toHint: 'a path at which there is nothing yet, as /srv/imported/ledger.db',
      says: 'A new ledger is made; the one in use stays as it is. Every hash and document is verified again, and a line that was altered, lost or doubled is named.',
    },
    copy: {
      title: 'Copy the ledger', submit: 'Copy', to: 'To', toHint: 'a new file, or postgresql://USER@HOST:PORT/DATABASE',
      says: 'Copies everything, drafts and keys too, into a new file or an empty PostgreSQL database, and checks it there. To go on with the copy, name it for the next start.',
    },
    place: {
      title: 'The ledger at the next start', submit: 'Name it', ledger: 'Ledger', ledgerHint: 'a path, or postgresql://USER@HOST:PORT/DATABASE; empty: the file in the data folder',
      says: 'Nothing is moved by this: the ledger that is named must be there, and is tried at once. It is opened at the next start.',
    },
    done: (path: string, entries: number, tickets: number, head: string, seconds: number): string => `${path} is there, checked: ${entries} entries, ${tickets} tickets, head ${head}, in ${seconds} s. To work with it, name it under “At the next start”.`,
    exported: (path: string, entries: number, documents: number, head: string, seconds: number): string => `${path} is written: ${entries} entries, ${documents} documents, head ${head}, in ${seconds} s.`,
    placed: (place: string, entries: number, effect: string): string => `${place} was reached (${entries} entries) and is opened ${effect}.`,
    another: 'Close',
  },
  scarce: 'Disk nearly full', clockOff: 'Clock is wrong',
  alarm: 'Backup failed', alarmSays: (message: string): string => `The last backup failed: ${message}`,
} as const
