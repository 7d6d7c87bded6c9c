/**
 * The web server: every route, limits, and what happens when something goes wrong. Start at {@link
 * gapwise.server.web.WebServer}.
 */
package gapwise.server.web;
