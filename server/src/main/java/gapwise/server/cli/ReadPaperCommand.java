package gapwise.server.cli;

import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.paper.Opened;
import gapwise.paper.Opening;
import gapwise.paper.Paper;
import gapwise.paper.Refused;
import gapwise.paper.reading.PaperFields;
import gapwise.paper.reading.PaperFieldsJson;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Reads a paper and prints what it holds for the template. */
@Command(
    name = "read-paper",
    description =
        "Read the tables and the running text of a paper (PDF) and print the values found, with"
            + " page, boxes, words and every doubt, as JSON. Nothing is stored.",
    mixinStandardHelpOptions = true)
public final class ReadPaperCommand implements Callable<Integer> {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  @Parameters(paramLabel = "FILE", description = "The paper as PDF.")
  private Path file;

  @Override
  public Integer call() throws IOException {
    Opening opening = Paper.open(file);
    if (opening instanceof Refused refused) {
      System.err.println(file + ": " + refused.sentence());
      return Exit.WRONG;
    }
    try (Paper paper = ((Opened) opening).paper()) {
      PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
      out.println(JSON.writeValueAsString(PaperFieldsJson.of(PaperFields.of(paper))));
      return Exit.DONE;
    }
  }
}
