package gapwise.server.admission;

import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Callback;

/**
 * What still comes of a body that is refused: thrown away for a while after the answer, since a
 * line that is cut while somebody sends shows her no answer.
 */
final class Remainder {
  private final Request request;
  private final Pace pace;
  private final long mostBytes;
  private final Callback over;
  private final long begun = System.nanoTime();
  private long came;

  /**
   * @param mostBytes after which the line is cut nevertheless
   * @param over told when nothing more is read
   */
  Remainder(Request request, Pace pace, long mostBytes, Callback over) {
    this.request = request;
    this.pace = pace;
    this.mostBytes = mostBytes;
    this.over = over;
  }

  void throwAway() {
    while (came <= mostBytes) {
      Content.Chunk chunk = request.read();
      if (chunk == null) {
        if (pace.tooSlow(System.nanoTime() - begun, came)) {
          break;
        }
        request.demand(this::throwAway);
        return;
      }
      boolean last = chunk.isLast() || Content.Chunk.isFailure(chunk);
      came += chunk.remaining();
      chunk.release();
      if (last) {
        break;
      }
    }
    over.succeeded();
  }
}
