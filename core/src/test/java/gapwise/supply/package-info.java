/**
 * Where the build's parts come from: what Maven took from the registry is what the project was
 * written with. Start at {@link gapwise.supply.DependencyChecksums}.
 */
package gapwise.supply;
