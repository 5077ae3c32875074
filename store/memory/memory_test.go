package memory_test

import (
	"testing"

	"plashet/store"
	"plashet/store/memory"
	"plashet/store/suite"
)

func TestSuite(t *testing.T) {
	suite.Run(t, func(*testing.T) store.Store { return memory.New() })
}

func BenchmarkStore(b *testing.B) {
	suite.Bench(b, func(*testing.B) store.Store { return memory.New() })
}
