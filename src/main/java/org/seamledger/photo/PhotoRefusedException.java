package org.seamledger.photo;

/** A file is no picture that can be kept; the message says why, in words for who sent it. */
public final class PhotoRefusedException extends Exception {

  private static final long serialVersionUID = 1;

  PhotoRefusedException(String message) {
    super(message);
  }

  PhotoRefusedException(String message, Throwable cause) {
    super(message, cause);
  }
}
