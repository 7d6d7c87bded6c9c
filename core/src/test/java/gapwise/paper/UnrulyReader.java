package gapwise.paper;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A reader that does what no reader of ours should, by the name of the file: never answers, takes
 * all memory, ends, or says what is no answer. Any other file has three pages.
 */
final class UnrulyReader {
  private UnrulyReader() {}

  public static void main(String[] arguments) throws IOException {
    DataOutputStream out = new DataOutputStream(new BufferedOutputStream(System.out));
    DataInputStream in = new DataInputStream(new BufferedInputStream(System.in));
    Reply.greeting().write(out);
    Optional<Frame> frame = Frame.read(in);
    while (frame.isPresent()) {
      Ask ask = Ask.read(frame.get());
      String file = ask.file();
      if (file.endsWith("endless.pdf")) {
        // Ends with its input alone, as ours does in a thread beside its reading.
        while (in.read() >= 0) {
          Thread.onSpinWait();
        }
        frame = Optional.empty();
      } else if (file.endsWith("greedy.pdf")) {
        takeAll();
      } else if (file.endsWith("crash.pdf")) {
        Runtime.getRuntime().halt(134);
      } else if (file.endsWith("garbled.pdf")) {
        out.write("this is no answer at all".getBytes(java.nio.charset.StandardCharsets.UTF_8));
        out.flush();
      } else if (ask.what() != Ask.What.STOP) {
        Reply.opened(3, 0).frame().write(out);
      }
      frame = Frame.read(in);
    }
    OwnFolder.ofThisProcess().ifPresent(OwnFolder::delete);
  }

  private static void takeAll() {
    List<byte[]> all = new ArrayList<>();
    while (all.size() < Integer.MAX_VALUE) {
      all.add(new byte[10_000_000]);
    }
  }
}
