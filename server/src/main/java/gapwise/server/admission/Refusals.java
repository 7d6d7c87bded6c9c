package gapwise.server.admission;

import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Writes why a request is not taken, before any page or route is asked. */
public interface Refusals {
  /**
   * Answers.
   *
   * @param status HTTP status
   * @param words what is wrong and what to do, as sentences
   * @param retryAfterSeconds when it is worth asking again; 0 where it is not
   * @param done told when the answer is written
   */
  void answer(
      Request request,
      Response response,
      int status,
      String words,
      int retryAfterSeconds,
      Callback done);
}
