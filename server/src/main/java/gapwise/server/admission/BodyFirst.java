package gapwise.server.admission;

import java.util.Locale;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Reads what a request brings before a thread is given to it, so that however many send slowly,
 * nobody else waits for them. What is too large or too slow is refused here.
 */
final class BodyFirst extends Handler.Wrapper {
  /** The attribute of a request that holds its connection, for who watches it. */
  static final String END_POINT = "gapwise.end-point";

  private final Bounds bounds;
  private final Spool spool;
  private final Refusals refusals;

  BodyFirst(Bounds bounds, Spool spool, Refusals refusals) {
    this.bounds = bounds;
    this.spool = spool;
    this.refusals = refusals;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    EndPoint end = request.getConnectionMetaData().getConnection().getEndPoint();
    if (end instanceof WatchedEndPoint watched) {
      request.setAttribute(END_POINT, watched);
      watched.underWay();
      Request.addCompletionListener(request, failure -> watched.answered());
    }
    HttpFields fields = request.getHeaders();
    boolean brings = request.getLength() > 0 || fields.contains(HttpHeader.TRANSFER_ENCODING);
    if (!brings) {
      return super.handle(request, response, callback);
    }
    String type = String.valueOf(fields.get(HttpHeader.CONTENT_TYPE));
    boolean upload = type.toLowerCase(Locale.ROOT).startsWith("multipart/form-data");
    long largest = upload ? Admission.LARGEST_UPLOAD_BYTES : Admission.LARGEST_BODY_BYTES;
    KeptBody body = new KeptBody(spool);
    new Arrival(getHandler(), bounds.body(), body, refusals, largest, request, response, callback)
        .begin();
    return true;
  }
}
