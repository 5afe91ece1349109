/**
 * Standards and papers, each once, cited by key from formulas, worksheet lines, refusals, tests and documents.
 * A citation is a key, optionally followed by a blank and the place: `MPMS-11.1-2004 11.1.6.1`.
 */
export const SOURCES = {
  'MPMS-3.1A': { title: 'Manual gauging of petroleum and petroleum products', edition: 'API MPMS Ch. 3.1A', publisher: 'American Petroleum Institute' },
  'MPMS-3.1B': { title: 'Level measurement of liquid hydrocarbons in stationary tanks by automatic tank gauging', edition: 'API MPMS Ch. 3.1B', publisher: 'American Petroleum Institute' },
  'OIML-R85': { title: 'Automatic level gauges for measuring the level of liquid in stationary storage tanks', edition: 'OIML R 85:2008', publisher: 'OIML' },
  'MPMS-8.1': { title: 'Manual sampling of petroleum and petroleum products', edition: 'API MPMS Ch. 8.1', publisher: 'American Petroleum Institute' },
  'CFR43-3174.6': { title: 'Oil measurement by manual tank gauging', edition: '43 CFR 3174.6', publisher: 'US Government' },
  'MPMS-3.6': { title: 'Measurement of liquid hydrocarbons by hybrid tank measurement systems', edition: 'API MPMS Ch. 3.6', publisher: 'American Petroleum Institute' },
  'MPMS-7': { title: 'Temperature determination', edition: 'API MPMS Ch. 7', publisher: 'American Petroleum Institute' },
  'MPMS-9': { title: 'Density determination (hydrometer)', edition: 'API MPMS Ch. 9', publisher: 'American Petroleum Institute' },
  'MPMS-11.1-2004': { title: 'Temperature and pressure volume correction factors for generalized crude oils, refined products and lubricating oils', edition: 'API MPMS Ch. 11.1, May 2004 (ASTM D1250-04, IP 200/04)', publisher: 'American Petroleum Institute' },
  'MPMS-11.1-2019': { title: 'Temperature and pressure volume correction factors: volumes and densities by unrounded factors', edition: 'API MPMS Ch. 11.1, May 2004, with Addendum 2, 2019', publisher: 'American Petroleum Institute' },
  'ASTM-D1250-80': { title: 'Petroleum measurement tables', edition: 'ASTM D1250-80 (API Standard 2540, IP 200), 1980', publisher: 'American Society for Testing and Materials' },
  'MPMS-11.2.2': { title: 'Compressibility factors for hydrocarbons, 0.350 to 0.637 relative density', edition: 'API MPMS Ch. 11.2.2 and 11.2.2M, 1986 (GPA 8286)', publisher: 'American Petroleum Institute' },
  'MPMS-11.2.4-2007': { title: 'Temperature correction for the volume of NGL and LPG, tables 23E, 24E, 53E, 54E, 59E and 60E', edition: 'API MPMS Ch. 11.2.4, 2007 (GPA TP-27)', publisher: 'American Petroleum Institute' },
  'MPMS-11.2.5': { title: 'A simplified vapor pressure correlation for commercial NGLs', edition: 'API MPMS Ch. 11.2.5, 2007 (GPA TP-15)', publisher: 'American Petroleum Institute' },
  'PENG-ROBINSON': { title: 'A new two-constant equation of state', edition: 'Peng and Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59', publisher: 'American Chemical Society' },
  'REFERENCE-EQUATIONS': { title: 'Reference equations of state of the normal paraffins: molar masses, critical constants, acentric factors', edition: 'as in CoolProp 8.0.0 (Lemmon, McLinden and Wagner 2009; Bücker and Wagner 2006; and others)', publisher: 'CoolProp' },
  'CODATA-2018': { title: 'Recommended values of the fundamental physical constants', edition: 'CODATA 2018', publisher: 'NIST' },
  'MPMS-11.2.3': { title: 'Water calibration of volumetric provers: density of water', edition: 'API MPMS Ch. 11.2.3, 1984 (Wagenbreth and Blanke)', publisher: 'American Petroleum Institute' },
  'MPMS-11.4.1': { title: 'Properties of reference materials: density of water', edition: 'API MPMS Ch. 11.4.1, 2003', publisher: 'American Petroleum Institute' },
  'MPMS-11.5': { title: 'Density/weight/volume intraconversion', edition: 'API MPMS Ch. 11.5, 2009', publisher: 'American Petroleum Institute' },
  'ASTM-D1555': { title: 'Calculation of volume and weight of industrial aromatic hydrocarbons and cyclohexane', edition: 'ASTM D1555-09', publisher: 'ASTM International' },
  'CFR40-80.1426': { title: 'Renewable fuel: standardized volume at 60 °F of ethanol and of biodiesel', edition: '40 CFR 80.1426(f)(8)', publisher: 'US Government' },
  'OIML-R125': { title: 'Measuring systems for the mass of liquids in tanks', edition: 'OIML R 125, 1998', publisher: 'OIML' },
  'OIML-R22': { title: 'International alcoholometric tables', edition: 'OIML R 22, 1975 (Directive 76/766/EEC)', publisher: 'OIML' },
  'EN-14214': { title: 'Fatty acid methyl esters for diesel engines and heating', edition: 'EN 14214:2012+A1:2014', publisher: 'CEN' },
  'UNESCO-44': { title: 'Algorithms for computation of fundamental properties of seawater', edition: 'UNESCO technical papers in marine science 44, 1983 (Millero and Poisson 1981)', publisher: 'UNESCO' },
  'LAB-CERTIFICATE': { title: 'Certificate of a laboratory: density against temperature of one product', edition: 'as named by its number', publisher: 'the laboratory it names' },
  'MPMS-12.1.1': { title: 'Calculation of static petroleum quantities, upright cylindrical tanks and marine vessels', edition: 'API MPMS Ch. 12.1.1', publisher: 'American Petroleum Institute' },
  'MPMS-2.2A': { title: 'Measurement and calibration of upright cylindrical tanks', edition: 'API MPMS Ch. 2.2A', publisher: 'American Petroleum Institute' },
  'MPMS-2.2E': { title: 'Calibration of horizontal cylindrical tanks', edition: 'API MPMS Ch. 2.2E (ISO 12917-1)', publisher: 'American Petroleum Institute' },
  'API-2552': { title: 'Measurement and calibration of spheres and spheroids', edition: 'API Std 2552', publisher: 'American Petroleum Institute' },
  'ISO-7507-1': { title: 'Calibration of vertical cylindrical tanks: strapping method', edition: 'ISO 7507-1:2003', publisher: 'ISO' },
  'JONES-TANK-VOLUME': { title: 'Calculating tank volume', edition: 'D. Jones, reprinted examples', publisher: 'D. Jones' },
  'MPMS-16.2': { title: 'Mass measurement of liquid hydrocarbons in vertical cylindrical tanks by hydrostatic tank gauging', edition: 'API MPMS Ch. 16.2 (ISO 11223)', publisher: 'American Petroleum Institute' },
  'MPMS-23.1': { title: 'Reconciliation of liquid pipeline quantities', edition: 'API MPMS Ch. 23.1 (formerly Std 2560)', publisher: 'American Petroleum Institute' },
  'ITS-90': { title: 'The International Temperature Scale of 1990, and conversion from IPTS-68', edition: 'ITS-90; as used by API MPMS Ch. 11.1-2004', publisher: 'BIPM' },
  'NIST-HB44-C': { title: 'General tables of units of measurement', edition: 'NIST Handbook 44, Appendix C', publisher: 'NIST' },
  'CFR43-3174.12': { title: 'Measurement tickets', edition: '43 CFR 3174.12', publisher: 'US Government' },
  'CFR40-280.43': { title: 'Methods of release detection: inventory control', edition: '40 CFR 280.43(a)', publisher: 'US Government' },
  'ISO-32000-1': { title: 'Document management: portable document format', edition: 'ISO 32000-1:2008, 12.8', publisher: 'ISO' },
  'ISO-19005-3': { title: 'PDF/A-3', edition: 'ISO 19005-3:2012', publisher: 'ISO' },
  'EN-319-142-1': { title: 'PAdES digital signatures', edition: 'ETSI EN 319 142-1', publisher: 'ETSI' },
  'RFC-5652': { title: 'Cryptographic Message Syntax (CMS)', edition: '2009', publisher: 'IETF' },
  'RFC-8785': { title: 'JSON canonicalization scheme', edition: 'RFC 8785', publisher: 'IETF' },
  'RFC-3339': { title: 'Date and time on the Internet', edition: 'RFC 3339', publisher: 'IETF' },
  'RFC-7914': { title: 'The scrypt password-based key derivation function', edition: 'RFC 7914', publisher: 'IETF' },
  'RFC-7292': { title: 'PKCS #12: personal information exchange syntax', edition: 'RFC 7292', publisher: 'IETF' },
  'FIPS-180-4': { title: 'Secure hash standard', edition: 'FIPS 180-4', publisher: 'NIST' },
  'NIST-SP-800-63B': { title: 'Digital identity guidelines: authentication', edition: 'NIST SP 800-63B', publisher: 'NIST' },
  'GUM': { title: 'Guide to the expression of uncertainty in measurement', edition: 'JCGM 100:2008', publisher: 'BIPM' },
  /** Rules of this project itself: the form of its inputs, the order of its book. */
  'HOUSE': { title: 'Rules of this software', edition: 'DEVELOPERS.md', publisher: 'Dipledger' },
  /** A rule the trade follows that no source was read for. */
  'COMMON-PRACTICE': { title: 'Common practice, no source', edition: '', publisher: '' },
} as const satisfies Record<string, { readonly title: string; readonly edition: string; readonly publisher: string }>

export type SourceKey = keyof typeof SOURCES

/** A citation: a key of {@link SOURCES}, then optionally a blank and the clause. */
export type Citation = SourceKey | `${SourceKey} ${string}`

/** The key a citation begins with. */
export function sourceKeyOf(citation: string): string {
  const blank = citation.indexOf(' ')
  return blank < 0 ? citation : citation.slice(0, blank)
}
