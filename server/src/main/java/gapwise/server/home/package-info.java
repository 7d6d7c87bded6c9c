/**
 * A home folder, open: where records are written, and the state of the evidence base that is read,
 * wired by hand. Start at {@link gapwise.server.home.Home} and {@link
 * gapwise.server.home.Evidence}.
 */
package gapwise.server.home;
