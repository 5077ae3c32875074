package sqldb

import "fmt"

// Fill lets the file of a store grow to so many pages, as a full disk would.
func Fill(s *Store, pages int) error {
	_, err := s.write.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages))
	return err
}

// StatesSQL is the question for a state by its digest.
const StatesSQL = statesSQL
