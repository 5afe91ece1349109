import type { ReactNode } from 'react'
import type { Ticket } from '../../core/ticket/index.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { Figure } from '../parts/Figure.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { readingsOf } from './readings.ts'
import { TicketLink } from './RegisterTable.tsx'

interface OfTicket { readonly ticket: Ticket }

const QUANTITIES = ['nsv', 'gsv', 'mass', 'weight', 'water'] as const

/** What went over the custody point; the net standard volume first. */
export function MovedFigures({ ticket }: OfTicket): ReactNode {
  const t = words.register.detail
  return (
    <dl className="ticket-moved" aria-label={t[ticket.kind]}>
      {QUANTITIES.map((quantity) => (
        <div key={quantity} className={quantity === 'nsv' ? 'ticket-nsv' : undefined}>
          <dt>{quantity === 'nsv' ? `${t[ticket.kind]}: ${t.quantities.nsv}` : t.quantities[quantity]}</dt>
          <dd><Figure value={ticket.result.moved[quantity].value} unit={ticket.result.moved[quantity].unit} /></dd>
        </div>
      ))}
    </dl>
  )
}

export function Facts({ ticket, zone }: OfTicket & { readonly zone: string }): ReactNode {
  const t = words.register.detail
  const facts: readonly (readonly [string, ReactNode])[] = [
    [t.from, `${ticket.from.name} (${ticket.from.code})`], [t.to, `${ticket.to.name} (${ticket.to.code})`], [t.tank, ticket.tank.code], [t.product, `${ticket.productName} (${ticket.product.code})`],
    [t.opened, localTime(ticket.opening.at, zone)], [t.closed, localTime(ticket.closing.at, zone)], [t.issued, localTime(ticket.issuedAt.replace(/\.\d+Z$/, 'Z'), zone)],
    ...(ticket.replaces === undefined ? [] : [[words.register.replaces, <TicketLink key="replaces" number={ticket.replaces} />] as const]),
    ...(ticket.reference === undefined ? [] : [[t.reference, ticket.reference] as const]), ...(ticket.remarks === undefined ? [] : [[t.remarks, ticket.remarks] as const]),
  ]
  return <dl className="ticket-facts">{facts.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
}

export function ExceptionList({ ticket }: OfTicket): ReactNode {
  const t = words.register.detail
  return (
    <>
      <h3>{t.exceptions}</h3>
      {ticket.result.exceptions.length === 0
        ? <p className="quiet">{t.noExceptions}</p>
        : <ul className="ticket-exceptions">{ticket.result.exceptions.map((exception) => <li key={exception.code + exception.path}>{exception.message}</li>)}</ul>}
    </>
  )
}

/** The gauges as they were written, which the worksheet starts from. */
export function Readings({ ticket, zone }: OfTicket & { readonly zone: string }): ReactNode {
  const t = words.register.detail
  return (
    <>
      <h3>{t.gauges}</h3>
      <table className="dense" aria-label={t.gauges}>
        <thead><tr><td /><th scope="col">{t.columns.opening}</th><th scope="col">{t.columns.closing}</th></tr></thead>
        <tbody>{readingsOf(ticket.opening, ticket.closing, zone).map((reading) => <tr key={reading.name}><th scope="row" className="reading-name">{reading.name}</th><td className="wrap">{reading.opening}</td><td className="wrap">{reading.closing}</td></tr>)}</tbody>
      </table>
    </>
  )
}

export function SignerList({ ticket }: OfTicket): ReactNode {
  const t = words.register.detail
  return (
    <>
      <h3>{t.signers}</h3>
      <ul className="ticket-signers">
        {ticket.signers.map((signer) => <li key={signer.identity}>{signer.name}, {signer.party}, {t.roles[signer.role]}<br /><span className="quiet">{t.certificate}</span> <code>{signer.certificate}</code></li>)}
      </ul>
    </>
  )
}

export function PlaceInLedger({ ticket, line, hash, documentHash }: OutputOf<'read-ticket'>): ReactNode {
  const t = words.register.detail
  const facts = [
    [t.entry, String(line.seq)], [t.hash, hash], [t.document, documentHash], [t.before, t.head(ticket.ledger.seq, ticket.ledger.head)],
    [t.versions, `${t.version(ticket.tank.code, ticket.tank.seq)}; ${t.version(ticket.product.code, ticket.product.seq)}`], [t.software, `${ticket.software.name} ${ticket.software.version}, core ${ticket.software.core}`],
  ] as const
  return (
    <>
      <h3>{t.place}</h3>
      <dl className="ticket-facts ticket-place">{facts.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
    </>
  )
}
