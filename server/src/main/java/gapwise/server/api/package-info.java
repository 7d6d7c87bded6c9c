/**
 * The HTTP API under /api/v1: JSON routes over the same functions as the pages, told in the OpenAPI
 * document {@code openapi.json} beside this package. What goes wrong comes as RFC 9457 problem
 * details. Start at {@link gapwise.server.api.Api}.
 */
package gapwise.server.api;
