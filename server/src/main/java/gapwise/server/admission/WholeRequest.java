package gapwise.server.admission;

import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;

/** A request whose body is read from where it was kept. */
final class WholeRequest extends Request.Wrapper {
  private final Content.Source body;

  WholeRequest(Request request, Content.Source body) {
    super(request);
    this.body = body;
  }

  @Override
  public Content.Chunk read() {
    return body.read();
  }

  @Override
  public void demand(Runnable callback) {
    body.demand(callback);
  }

  @Override
  public void fail(Throwable failure) {
    body.fail(failure);
    super.fail(failure);
  }
}
