package words

// esDoc has what the fields of the job document are for, by the English. The files
// es_doc_*.go follow the document's parts, in its order; where several parts say the
// same of a field it stands with the first.
var esDoc = joined([]map[string]string{esDocSite, esDocWater, esDocVault, esDocPump, esDocPipe, esDocOffer})
