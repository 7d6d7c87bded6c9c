package gapwise.server.admission;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.BufferUtil;
import org.eclipse.jetty.util.Callback;

/**
 * Takes an answer off the thread that makes it and sends it when the thread is done, so that who
 * reads slowly holds no thread. Longer answers hold theirs, and are ended where they are read too
 * slowly ({@link WatchedEndPoint}).
 */
final class AnswerAhead extends Handler.Wrapper {
  private final int mostBytes;

  /**
   * @param mostBytes of an answer that is kept so
   */
  AnswerAhead(int mostBytes) {
    this.mostBytes = mostBytes;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Ahead ahead = new Ahead(request, response, callback);
    return super.handle(request, ahead, ahead);
  }

  /** What was written, given on without another copy. */
  private static final class Kept extends ByteArrayOutputStream {
    ByteBuffer whole() {
      return ByteBuffer.wrap(buf, 0, count);
    }

    void take(ByteBuffer part) {
      if (part.hasArray()) {
        write(part.array(), part.arrayOffset() + part.position(), part.remaining());
      } else {
        writeBytes(BufferUtil.toArray(part));
      }
    }
  }

  /** One answer; its writer is told that all is written before it is. */
  private final class Ahead extends Response.Wrapper implements Callback {
    private final Callback whole;
    private final Kept kept = new Kept();
    private boolean passes;

    Ahead(Request request, Response response, Callback whole) {
      super(request, response);
      this.whole = whole;
    }

    @Override
    public void write(boolean last, ByteBuffer part, Callback written) {
      if (passes) {
        super.write(last, part, written);
      } else if (kept.size() + BufferUtil.length(part) <= mostBytes) {
        if (BufferUtil.hasContent(part)) {
          kept.take(part);
          BufferUtil.clear(part);
        }
        written.succeeded();
      } else {
        passes = true;
        ByteBuffer first = kept.whole();
        super.write(
            false, first, Callback.from(() -> super.write(last, part, written), written::failed));
      }
    }

    /** The thread is done. */
    @Override
    public void succeeded() {
      if (passes) {
        whole.succeeded();
      } else {
        super.write(true, kept.whole(), whole);
      }
    }

    /** The thread broke off; what was kept is not the answer. */
    @Override
    public void failed(Throwable failure) {
      whole.failed(failure);
    }

    @Override
    public InvocationType getInvocationType() {
      return whole.getInvocationType();
    }
  }
}
