/**
 * Which treatments studies compare: treatments on an oval, a line for each compared pair. Start at
 * {@link gapwise.figure.network.NetworkGraph}.
 */
package gapwise.figure.network;
