/**
 * One case held against published series; it stands in the address and nowhere else. Start at
 * {@link gapwise.server.page.place.CasePage}.
 */
package gapwise.server.page.place;
