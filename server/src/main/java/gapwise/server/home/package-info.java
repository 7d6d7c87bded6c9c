/**
 * A home folder, open: records, index, and the doors over them, wired by hand. Start at {@link
 * gapwise.server.home.Home}.
 */
package gapwise.server.home;
