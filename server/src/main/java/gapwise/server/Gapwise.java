package gapwise.server;

/** The main class; commands are wired here. */
public final class Gapwise {
  private Gapwise() {}

  public static void main(String[] arguments) {
    System.out.println("gapwise");
  }
}
