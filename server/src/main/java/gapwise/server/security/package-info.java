/**
 * What stands between a request and the rooms: headers and the check that a form came from our own
 * pages. Start at {@link gapwise.server.security.SameOrigin}.
 */
package gapwise.server.security;
