/**
 * What the tests of this module share: a server that answers, started once where tests only read, a
 * browser, an evidence base invented for tests, and damage done to a database from outside. Start
 * at {@link gapwise.server.testing.SharedServer}.
 */
package gapwise.server.testing;
