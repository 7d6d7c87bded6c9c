package gapwise.server.cli;

import gapwise.problem.WrongInputException;
import gapwise.server.account.NoAccountsException;
import gapwise.store.StoreUnusableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.util.Objects;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Tells people what broke a command off, without a stack trace. */
public final class Failure {
  private static final Logger LOG = LoggerFactory.getLogger(Failure.class);

  private Failure() {}

  /** Words a failure on standard error and gives the exit code. */
  public static int tell(Exception failure, CommandLine command, ParseResult parsed) {
    if (failure instanceof WrongInputException wrong) {
      wrong.problems().forEach(problem -> System.err.println(problem.line()));
      return Exit.WRONG;
    }
    if (failure instanceof StoreUnusableException) {
      System.err.println(failure.getMessage());
      return Exit.BROKE_OFF;
    }
    if (failure instanceof NoAccountsException) {
      System.err.println(failure.getMessage());
      return Exit.WRONG;
    }
    if (failure instanceof IOException file) {
      System.err.println(words(file));
      return Exit.BROKE_OFF;
    }
    if (failure instanceof UncheckedIOException unchecked) {
      System.err.println(
          unchecked.getMessage() + ": " + words(Objects.requireNonNull(unchecked.getCause())));
      return Exit.BROKE_OFF;
    }
    if (String.valueOf(failure.getMessage()).contains("Port already in use")) {
      System.err.println("The port is taken by another program; choose one by --port.");
      return Exit.BROKE_OFF;
    }
    LOG.error("{} broke off", command.getCommandName(), failure);
    return Exit.BROKE_OFF;
  }

  /** The libraries often say no more than the name of the file. */
  private static String words(IOException failure) {
    if (failure instanceof AccessDeniedException denied) {
      return denied.getFile() + " may not be read or written by the user who runs the program.";
    }
    if (failure instanceof NoSuchFileException absent) {
      return absent.getFile() + " is not there.";
    }
    if (failure instanceof FileAlreadyExistsException there) {
      return there.getFile() + " is there already and is in the way; move it somewhere else.";
    }
    return String.valueOf(failure.getMessage());
  }
}
