/**
 * What the tests of this module share: a server that answers, a browser, an evidence base invented
 * for tests, and damage done to a database from outside. Start at {@link
 * gapwise.server.testing.RunningServer}.
 */
package gapwise.server.testing;
