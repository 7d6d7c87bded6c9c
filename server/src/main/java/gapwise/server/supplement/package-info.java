/**
 * What a page or command asks of a supplement: from an address or plans to the analyses that go
 * into it. Start at {@link gapwise.server.supplement.Supplements}.
 */
package gapwise.server.supplement;
