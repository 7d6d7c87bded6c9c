package gapwise.server.web;

import gapwise.server.account.Actor;
import gapwise.server.admission.Refusals;
import gapwise.server.api.ProblemDetails;
import gapwise.server.page.ErrorPage;
import gapwise.server.security.Headers;
import io.javalin.http.HttpStatus;
import java.nio.ByteBuffer;
import java.util.List;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers requests that never come to a route, because they are no HTTP, too large or too slow:
 * with the headers of every other answer, in our words, and nothing of what was sent.
 */
final class EdgeFailures implements Request.Handler, Refusals {
  private static final Logger LOG = LoggerFactory.getLogger(EdgeFailures.class);

  private final ErrorPage page;

  EdgeFailures(ErrorPage page) {
    this.page = page;
  }

  /** Called by the web server for whatever it refuses itself. */
  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    int status = response.getStatus();
    Object cause = request.getAttribute(ErrorHandler.ERROR_EXCEPTION);
    if (cause instanceof HttpException http) {
      status = http.getCode();
    } else if (cause instanceof Throwable failure) {
      LOG.error("{} failed before any route", request.getMethod(), failure);
    }
    answer(request, response, status, words(status), 0, callback);
    return true;
  }

  @Override
  public void answer(
      Request request,
      Response response,
      int status,
      String words,
      int retryAfterSeconds,
      Callback done) {
    // No route was reached, so that nobody is known; the thread may have answered somebody before.
    Actor.leave();
    HttpStatus known = HttpStatus.forStatus(status);
    response.setStatus(status);
    Headers.on((name, value) -> response.getHeaders().put(name, value));
    if (retryAfterSeconds > 0) {
      response.getHeaders().put(HttpHeader.RETRY_AFTER, retryAfterSeconds);
    }
    boolean program =
        request.getHttpURI().getPath() != null
            && request.getHttpURI().getPath().startsWith("/api/");
    byte[] body =
        program
            ? ProblemDetails.bytes(known, words, List.of())
            : page.bytes(known, words, List.of());
    response
        .getHeaders()
        .put(
            new HttpField(HttpHeader.CONTENT_TYPE, program ? ProblemDetails.TYPE : ErrorPage.TYPE));
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
    response.write(true, ByteBuffer.wrap(body), done);
  }

  private static String words(int status) {
    return switch (status) {
      case 400 ->
          "The request cannot be read: its address, header or body breaks the rules of HTTP.";
      case 404 -> "There is nothing at this address.";
      case 408 -> "The request came too slowly, so the connection was ended.";
      case 413 -> "What was sent is larger than this server takes.";
      case 414 -> "The address is longer than this server reads; ask for less at once.";
      case 417 -> "The request expects something that this server does not do.";
      case 426, 505 -> "This server speaks HTTP/1.1 and HTTP/1.0.";
      case 431 -> "The header of the request is longer than this server reads.";
      default -> status < 500 ? "The request cannot be answered." : Failures.OUR_FAULT;
    };
  }
}
