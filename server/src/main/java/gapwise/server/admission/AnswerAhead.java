package gapwise.server.admission;

import org.eclipse.jetty.http.HttpMethod;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.BufferedResponseHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Takes an answer off the thread that made it, so that who reads slowly holds no thread. Longer
 * answers hold theirs, and are ended where they are read too slowly ({@link WatchedEndPoint}).
 */
final class AnswerAhead extends BufferedResponseHandler {
  /** Nearly all pages; a thousand of them are a quarter of the heap. */
  private static final int MOST_BYTES = 256 * 1024;

  /** Larger than the pieces in which answers are handed over. */
  private static final int PIECE_BYTES = 64 * 1024;

  AnswerAhead() {
    includeMethod(HttpMethod.POST.asString()); // reading is included already
  }

  @Override
  public boolean onConditionsMet(Request request, Response response, Callback callback)
      throws Exception {
    request.setAttribute(BUFFER_SIZE_ATTRIBUTE_NAME, MOST_BYTES);
    request.setAttribute(MAX_AGGREGATION_SIZE_ATTRIBUTE_NAME, PIECE_BYTES);
    return super.onConditionsMet(request, response, callback);
  }

  @Override
  protected boolean isMimeTypeBufferable(String type) {
    return true;
  }
}
