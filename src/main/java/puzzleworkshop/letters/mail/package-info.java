/** The way out by SMTP: the owner's mail server, messages as RFC 5322 has them, and the outbox they leave from. */
package puzzleworkshop.letters.mail;
