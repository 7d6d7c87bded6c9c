/**
 * What the evidence base holds and where it holds nothing: at a glance, by size, and by methods
 * side by side. Start at {@link gapwise.server.page.map.MapPage}.
 */
package gapwise.server.page.map;
