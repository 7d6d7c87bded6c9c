package gapwise.server.cli;

import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.problem.Problems;
import gapwise.table.TableFile;
import gapwise.untidy.FieldsJson;
import gapwise.untidy.Mapping;
import gapwise.untidy.Preview;
import gapwise.untidy.UntidySheets;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a colleague's sheet and prints what it holds for the template. */
@Command(
    name = "read-sheet",
    description =
        "Read a sheet that is not in the template's form and print its values, with their places"
            + " and every doubt, as JSON. Nothing is stored.",
    mixinStandardHelpOptions = true)
public final class ReadSheetCommand implements Callable<Integer> {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  @Parameters(paramLabel = "FILE", description = "A workbook (.xlsx) or a text with separators.")
  private Path file;

  @Option(
      names = "--mapping",
      paramLabel = "FILE",
      description = "What columns hold, accepted before, as JSON; may be given several times.")
  private List<Path> mappings = new ArrayList<>();

  @Override
  public Integer call() throws IOException {
    List<Mapping> known = new ArrayList<>();
    for (Path mapping : mappings) {
      try {
        known.add(Mapping.ofJson(Files.readString(mapping, StandardCharsets.UTF_8)));
      } catch (IllegalArgumentException wrong) {
        System.err.println(mapping + " is no mapping of columns as this command prints them.");
        return Exit.WRONG;
      }
    }
    Problems problems = new Problems();
    Preview preview = UntidySheets.read(TableFile.of(file), known, problems);
    problems.list().forEach(problem -> System.err.println(problem.line()));
    if (preview.fields().isEmpty() && preview.apart().isEmpty()) {
      System.err.println("No table was found in " + file + ".");
      return Exit.WRONG;
    }
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.println(JSON.writeValueAsString(FieldsJson.of(preview)));
    return Exit.DONE;
  }
}
