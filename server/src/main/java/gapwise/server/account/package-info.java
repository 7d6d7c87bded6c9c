/**
 * People and rights: accounts with roles, sessions, tokens of programs, how often signing in may be
 * tried, and the trail of it all. Nothing here knows a page. Start at {@link
 * gapwise.server.account.Right} and {@link gapwise.server.account.Gate}.
 */
package gapwise.server.account;
