/** The channels between window and main process; there are no others. */
export const CALL = 'dipledger:call'
export const CANCEL = 'dipledger:cancel'
export const STEP = 'dipledger:step'
