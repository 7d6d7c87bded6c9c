/**
 * What the address of a page says and how it is written: filters, questions, claims, cases, orders
 * and columns, each read in one place by pages and API alike, so that both understand the same
 * names. What is wrong in an address is told with the name of its parameter. Nothing here answers a
 * request, and nothing is computed.
 *
 * <p>Start at {@link gapwise.server.address.Address}; filters are read by {@link
 * gapwise.server.address.Filters}, the paths of pages stand in {@link
 * gapwise.server.address.PagePaths}.
 */
package gapwise.server.address;
