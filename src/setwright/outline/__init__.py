"""What is published, and where: content and addresses that pages, sheets and phones share. No words, no markup."""
