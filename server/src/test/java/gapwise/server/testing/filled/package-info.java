/**
 * Pages with much on them, each filled by a builder of its own through the forms that people use;
 * {@link gapwise.server.testing.filled.FilledServer} starts the servers and names the states. All
 * of it is invented.
 */
package gapwise.server.testing.filled;
