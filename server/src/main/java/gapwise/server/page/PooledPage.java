package gapwise.server.page;

final class PooledPage {
  static final String PATH = "/pooled";

  private PooledPage() {}
}
