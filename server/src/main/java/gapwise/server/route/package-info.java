/**
 * Which address is answered by what. What pages and API show belongs to one state of the evidence
 * base, so they are made once for each state; a request is answered by those of the state that is
 * shown when it comes in. Start at {@link gapwise.server.route.Routes}.
 */
package gapwise.server.route;
